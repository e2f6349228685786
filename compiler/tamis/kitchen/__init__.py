"""What a kitchen knows: goods, verbs, equipment, facts of safety, and the settings of the house."""
