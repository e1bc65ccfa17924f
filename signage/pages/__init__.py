"""Level 3: the training site behind the QR codes, from the same content as the sheets."""
