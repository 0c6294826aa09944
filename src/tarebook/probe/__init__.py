"""What a thermometer's log says: when a temperature was first reached, and how long it held.

Files of this room:

- ``times``: the time of a row, as thermometers and phones write it.
- ``columns``: which column is the time, which are temperatures, and in what scale.
- ``log``: a log file to readings, with what was odd about it.
- ``reached``: when a temperature was first reached, and how long it was held.

Only readings and their times: no equivalent minutes, no log reductions, no verdict. Imports
nothing above ``quantities``.
"""

from tarebook.probe.log import MOST_BYTES, Gap, Log, Reading, read_log
from tarebook.probe.reached import THRESHOLDS_F, Reached, reached

__all__ = ["MOST_BYTES", "THRESHOLDS_F", "Gap", "Log", "Reached", "Reading", "reached", "read_log"]
