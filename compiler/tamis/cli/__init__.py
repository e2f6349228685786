"""The command `tamis`, one file a command. Each imports what it needs only when it runs."""
