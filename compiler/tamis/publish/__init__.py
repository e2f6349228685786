"""Compiled recipes as files that others read: a site of pages, with the same facts as structured data."""
