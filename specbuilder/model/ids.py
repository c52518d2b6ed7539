"""Names of catalogue things. An id is kebab-case, unique among its kind and never reused."""

from typing import NewType

OptionId = NewType("OptionId", str)
GroupId = NewType("GroupId", str)
RuleId = NewType("RuleId", str)
LedgerId = NewType("LedgerId", str)
CautionId = NewType("CautionId", str)
PaperId = NewType("PaperId", str)
BriefKey = NewType("BriefKey", str)
"""A key of the brief or of the job state, e.g. ``adults`` or ``signing``."""
Tag = NewType("Tag", str)
"""A capability given by a choice or the van, e.g. ``open-flame`` or ``exhaust@left``."""
Zone = NewType("Zone", str)
"""A place in the van that a choice claims, e.g. ``wall-floor@right``."""

BASE_VAN_GROUP = GroupId("base-van")
"""The group whose options are the base vans: the only group the program knows by name."""
VAN_SUPPLY_GROUP = GroupId("van-supply")
"""The group that says whose van it is (question 3 of the brief)."""
CUSTOMER_PART = Tag("customer-part")
"""Given by every choice that is the customer's own part: the one capability the program itself gives."""
