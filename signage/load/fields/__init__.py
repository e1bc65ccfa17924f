"""What a person can write in the content files, told from the schema itself."""
