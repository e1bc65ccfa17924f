"""What would follow if the order were another: steps left out, swapped, added."""
