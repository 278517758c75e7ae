"""One class at work: reads, computes, drafts, and takes a person's decisions."""
