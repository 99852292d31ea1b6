"""Surveys apart from any estimate: laying out holes, reading tables, statistics, overlay.

Reading order: layout; table_cells, table_workbook, table_headings, table_guess,
table_reading; statistics, comparison; overlay. Fits need the
estimate and live in ``planner.estimate.calibrate``.
"""
