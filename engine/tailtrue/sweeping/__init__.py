"""Jobs made from the catalogue of given facts, to see what of the rule base some job reaches."""
