"""Rules over the content as a whole, one file each."""
