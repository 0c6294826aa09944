"""Home-dried marinated meat: scaled, weighed and reckoned. Each room has a page of its own."""

__version__ = "0.1.0"
