"""Writing a rubric: a form over its file, and what the open class would get from it."""
