import sys

from brimwork.cli import main

sys.exit(main())
