"""`python -m generator`: the same as `studyguide`."""

import sys

from generator.cli import main

if __name__ == "__main__":  # processes that draw charts import this module too
    sys.exit(main())
