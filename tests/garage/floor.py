"""How long rclone takes to fetch everything under a prefix into a folder: a floor for our own way of fetching.

`floor.py s3 ENDPOINT REGION BUCKET KEY PREFIX INTO` with the secret in SECRET, or `floor.py folder PATH PREFIX INTO`. Eight are
fetched at a time, as ours are. Prints as one line of JSON {seconds, files, bytes}; rclone's own start is in the seconds.
"""

import json
import os
import pathlib
import subprocess
import sys
import time


def main():
    kind, *rest = sys.argv[1:]
    # What is set on this machine for another store is not meant.
    known = {name: value for name, value in os.environ.items() if not name.startswith(("AWS_", "RCLONE_"))}
    known["RCLONE_CONFIG"] = "/dev/null"
    if kind == "s3":
        endpoint, region, bucket, key, prefix, into = rest
        known |= {
            "RCLONE_CONFIG_FROM_TYPE": "s3", "RCLONE_CONFIG_FROM_PROVIDER": "Other", "RCLONE_CONFIG_FROM_ENDPOINT": endpoint,
            "RCLONE_CONFIG_FROM_REGION": region, "RCLONE_CONFIG_FROM_ACCESS_KEY_ID": key,
            "RCLONE_CONFIG_FROM_SECRET_ACCESS_KEY": os.environ["SECRET"], "RCLONE_CONFIG_FROM_FORCE_PATH_STYLE": "true",
        }
        # With the stroke at its end it is not asked for as a file first.
        start = f"from:{bucket}/{prefix}/"
    else:
        path, prefix, into = rest
        start = f"{path}/{prefix}"
    command = ["rclone", "copy", "--transfers", "8", "--checkers", "8", "--retries", "1", "--quiet", start, into]
    began = time.monotonic()
    subprocess.run(command, check=True, env=known)
    seconds = time.monotonic() - began
    files = [file for file in pathlib.Path(into).rglob("*") if file.is_file()]
    print(json.dumps({"seconds": round(seconds, 3), "files": len(files), "bytes": sum(file.stat().st_size for file in files)}))


if __name__ == "__main__":
    main()
