"""When each piece of work begins: tasks and links (solver-free), a plan for one cook, and the ways to show
it."""
