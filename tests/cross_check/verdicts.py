"""Every check of safety and of water graded by the cross-check, from what is true on the ground.

Where a typed value and the design's own levels, sizes or parts disagree, the worse of the two counts. Limits stand in the job's list of checks; a
design's own limits are not looked at.
"""

import verdicts_loads  # noqa: F401 - each fills the register
import verdicts_site  # noqa: F401
import verdicts_water  # noqa: F401
from grading import CHECKS, Verdict, judged

__all__ = ["CHECKS", "SAFETY", "Verdict", "judged"]
# Somebody may be hurt where one of these hides a fail.
SAFETY = ("C20", "C21", "C22", "C23", "C24", "C24f", "C25", "C25e", "C26", "C27", "C28", "C29", "C30", "C32", "C33", "C35", "C36", "C41", "C42", "C43", "C44", "C45", "C46",
          "C46e", "C75", "C76", "C77", "C78", "C47", "C48", "C51", "C52", "C53", "C54", "C58", "C62", "C65", "C71", "C13")  # fmt: skip
