"""What stands round the steps of several kinds of sheet: bands, the box of the key rule, the foot."""
