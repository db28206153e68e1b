#!/bin/sh
# Makes the fonts of this folder from Debian's fonts-dejavu-core 2.37-6, with pyftsubset of
# python3-fonttools: Latin, Greek, Cyrillic, arrows, sub- and superscripts, mathematics.
set -eu
cd "$(dirname "$0")"
for f in DejaVuSans DejaVuSans-Bold DejaVuSansMono; do
  pyftsubset "/usr/share/fonts/truetype/dejavu/$f.ttf" --output-file="$f.ttf" --no-hinting --layout-features='' \
    --drop-tables+=GSUB,GPOS,GDEF,MATH,kern,FFTM --name-IDs='*' --no-recalc-timestamp \
    --unicodes='U+0020-007E,U+00A0-024F,U+0259,U+02B0-02FF,U+0300-0312,U+0327-0328,U+0370-03FF,U+0400-045F,U+0490-0491,U+1E00-1EFF,U+2010-2027,U+2030-205E,U+2070-209F,U+20AC,U+2100-214F,U+2150-218F,U+2190-21FF,U+2200-22FF,U+2300,U+25A0-25FF,U+2610-2612,U+2713-2718,U+FFFD'
done
