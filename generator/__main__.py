"""`python -m generator`: the same as `studyguide`."""

import sys

from generator.cli import main

sys.exit(main())
