"""What earlier phases and the library find.

The documentation and examples of each finding, one file a rule.
"""
