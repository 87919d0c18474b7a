"""`nursery settings`, `nursery units`: what a machine needs to run this, printed."""

import sys
from pathlib import Path

import click

import assistant

FOLDER = Path(assistant.__file__).parent / "deploy"


@click.command()
def settings() -> None:
    """Print a settings file with every setting explained. NURSERY_SETTINGS_FILE names yours."""
    click.echo((FOLDER / "settings.toml").read_text(encoding="utf-8"), nl=False)


@click.command()
@click.argument("into", type=click.Path(path_type=Path, file_okay=False))
@click.option("--user", default="nursery", help="The account that runs the service.")
@click.option("--folder", default="/var/lib/nursery", help="Where its data lies.")
@click.option("--settings", "file", help="Its settings; settings.toml in that folder.")
def units(into: Path, user: str, folder: str, file: str | None) -> None:
    """Write the systemd units nursery-web and nursery-worker INTO a folder."""
    file = file or f"{folder}/settings.toml"
    nursery = Path(sys.executable).parent / "nursery"
    into.mkdir(parents=True, exist_ok=True)
    for name in ("web", "worker"):
        text = (FOLDER / f"{name}.service").read_text(encoding="utf-8")
        filled = text.format(user=user, folder=folder, settings=file, nursery=nursery)
        place = into / f"nursery-{name}.service"
        place.write_text(filled, encoding="utf-8")
        click.echo(f"{place}")
    click.echo(
        "Then: systemctl daemon-reload && systemctl enable --now nursery-web nursery-worker"
    )
