"""The independent inspection: reads a finished tree against what the user has, and shares no code with its making."""

from tailtrue.inspection.inspector import inspect
from tailtrue.inspection.report import Failure, Report
from tailtrue.inspection.rule import Rule
from tailtrue.inspection.rules import RECORD_RULES, RULES
from tailtrue.inspection.shop import HandSetting, Shop, ShopEntry, SpeedCap

__all__ = ["RECORD_RULES", "RULES", "Failure", "HandSetting", "Report", "Rule", "Shop", "ShopEntry", "SpeedCap", "inspect"]
