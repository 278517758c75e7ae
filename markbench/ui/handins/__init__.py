"""Hand-ins: late, missing, handed in again, given more time, and reminders to copy."""
