"""At the lathe: readings of the two collars in, the move of the tailstock out, and what the readings cannot say."""
