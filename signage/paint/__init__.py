"""Level 3: display lists to PDF, SVG and PNG."""
