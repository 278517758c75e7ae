"""Beginning a class: from an empty start to drafts in a few steps."""
