"""Who is second-marked, how well two markers agree, and what follows."""
