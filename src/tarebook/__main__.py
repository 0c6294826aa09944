"""``python -m tarebook``, and the command ``tarebook``."""


def main() -> None:
    """Run the program; Ctrl-C while it is still being loaded is no traceback either."""
    try:
        from tarebook.cli.main import run

        run()
    except KeyboardInterrupt:
        raise SystemExit(130) from None


if __name__ == "__main__":
    main()
