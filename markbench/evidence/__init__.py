"""Photos and swing videos: opened, fingerprinted, measured."""
