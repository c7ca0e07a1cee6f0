"""The independent inspection: reads a finished tree against what the user has, and shares no code with its making."""

from tailtrue.inspection.inspector import inspect
from tailtrue.inspection.report import Failure, Report
from tailtrue.inspection.rules import RULES
from tailtrue.inspection.shop import HandSetting, Shop, ShopEntry, SpeedCap

__all__ = ["RULES", "Failure", "HandSetting", "Report", "Shop", "ShopEntry", "SpeedCap", "inspect"]
