"""The swing video as a clock: decoded, steadied, followed, fitted, judged, compared."""
