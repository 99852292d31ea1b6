"""Surveys apart from any estimate: laying out holes, reading tables, statistics, overlay.

Reading order: layout; table_errors, table_numbers, table_cells, table_xlsx, table_guess,
table_reading; statistics, comparison, words; overlay, meter_response. Fits need the
estimate and live in ``planner.estimate.calibrate``.
"""
