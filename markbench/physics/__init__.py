"""The pendulum's law, local gravity, straight lines and their uncertainty: arrays throughout."""
