"""tarebook."""
