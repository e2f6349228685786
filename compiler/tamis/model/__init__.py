"""The recipe understood: ingredient uses, products, actions, and the flow between them."""
