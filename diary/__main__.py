"""`python -m diary` is the command `diary`."""

from diary.cli import main

if __name__ == "__main__":
    main()
