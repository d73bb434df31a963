# SPDX-License-Identifier: MIT
"""Print the directory under PREFIX where this interpreter looks for packages."""

import os
import subprocess
import sys
import sysconfig

USUAL_NAMES = ("site-packages", "dist-packages")


def below(path, prefix):
    """What follows prefix in path; None when path does not lie under it."""
    relative = os.path.relpath(path, prefix)
    return None if relative.split(os.sep)[0] == os.pardir else relative


def package_directory(prefix, module_path, scheme, base, version):
    """The first usual directory of module_path under prefix, else the one that the
    interpreter's own scheme would use if its base were prefix.

    A directory under PREFIX/local belongs to the prefix PREFIX/local.
    """
    for entry in module_path:
        relative = below(entry, prefix)
        if (
            relative
            and os.path.basename(entry) in USUAL_NAMES
            and relative.split(os.sep)[0] != "local"
        ):
            return entry
    relative = below(scheme, base)
    if relative is None or os.path.basename(relative) not in USUAL_NAMES:
        relative = os.path.join("lib", "python" + version, "site-packages")
    parts = relative.split(os.sep)
    return os.path.join(prefix, *(parts[1:] if parts[0] == "local" else parts))


def own_module_path():
    """The module path without what the user or the environment adds to it."""
    listing = subprocess.run(
        [sys.executable, "-I", "-c", "import sys; print('\\n'.join(sys.path))"],
        check=True,
        stdout=subprocess.PIPE,
        universal_newlines=True,
    )
    return listing.stdout.splitlines()


def main():
    print(
        package_directory(
            os.path.abspath(sys.argv[1]),
            own_module_path(),
            sysconfig.get_path("platlib"),
            sys.prefix,
            "%d.%d" % sys.version_info[:2],
        )
    )


if __name__ == "__main__":
    main()
