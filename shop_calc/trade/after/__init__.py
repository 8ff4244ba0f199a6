"""After the trowel: strength, moving, support, curl, finish, cost."""
