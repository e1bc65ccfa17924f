"""Every rule of the rehearsal: its code, its severity, what it says, why, one example and the cure."""
