"""Questions put to a portfolio or a class; each answers with findings."""
