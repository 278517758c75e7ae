"""Pages that look after a class: its copies, its evidence, and what Markbench is made of."""
