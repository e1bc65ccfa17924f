"""Level 2: a protocol is walked step by step against declared facts."""
