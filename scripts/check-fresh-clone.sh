#!/usr/bin/env bash
# The README's two commands, and its link to the command, on a fresh clone with an empty home folder, as a newcomer would type them; the tree must stay
# clean. Clones the last commit, so commit first. Takes a minute or two and needs the network.
set -eu
source=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
mkdir "$place/home"
git clone --quiet "$source" "$place/clone"
cd "$place/clone"

as_newcomer() { env -i HOME="$place/home" PATH="$PATH" LANG=C.UTF-8 "$@" </dev/null; }

as_newcomer npm start
# The word itself, linked where a newcomer's npm may write, and called from another folder.
mkdir -p "$place/global/lib/node_modules" "$place/global/bin"
(cd packages/cli && as_newcomer npm_config_prefix="$place/global" npm link)
(cd "$place/home" && as_newcomer "$place/global/bin/scantling" --version)
as_newcomer npm test
changed=$(git status --porcelain)
if [ -n "$changed" ]; then
  printf 'the commands left something behind:\n%s\n' "$changed" >&2
  exit 1
fi
find out -name '*.svg' | grep -q . || { echo "npm start drew nothing into out/" >&2; exit 1; }
echo "fresh clone: npm start, npm link and npm test pass, the tree is clean"
