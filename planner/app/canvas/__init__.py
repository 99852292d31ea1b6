"""The drawings: plan view and side elevation, edited by hand."""
