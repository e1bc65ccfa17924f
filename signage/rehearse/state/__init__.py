"""What is true at one moment: bodies, layers, hands, people, zones."""
