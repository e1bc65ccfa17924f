"""YAML to nodes, every value with its place."""
