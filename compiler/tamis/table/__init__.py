"""What a cook gathers before starting: ingredient table and equipment list, derived from the method."""
