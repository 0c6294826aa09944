"""Every rule, in two tuples of functions of one signature.

To add a rule: its line in ``reference/rules.csv`` and ``rule-figures.csv``, its source, a function
beside its kin, its name in one of the two tuples, its title in ``caution``, and a test with a batch
it accepts and one it refuses.
"""

from __future__ import annotations

from collections.abc import Callable

from tarebook.findings import Finding
from tarebook.recipe.model import Recipe
from tarebook.safety.case import Case
from tarebook.safety.caution import Caution, caution_of, gravity
from tarebook.safety.cure import (
    check_cure_dose,
    check_cure_food,
    check_cure_little,
    check_cure_nitrate,
    check_cure_scale,
    check_cure_words,
    cure_handling,
    cure_is_no_heat,
    own_scale,
)
from tarebook.safety.dryer import (
    check_dryer,
    check_finish,
    check_thickness,
    dryer,
    own_dryer,
    weighed_moist,
)
from tarebook.safety.eaters import (
    alcohol,
    allergens,
    check_salt_crystal,
    enhanced_meat,
    estimate,
    higher_risk,
    home_card,
    much_sodium,
    potassium,
    salt_by_spoon,
    scaling,
)
from tarebook.safety.game import (
    deer_testing,
    fish_freezing,
    game_parasites,
    gloves,
    gut_shot,
    mushroom_poison,
    pork_freezing,
)
from tarebook.safety.ground import check_ground_lean, check_ground_soak, ground
from tarebook.safety.heat import (
    bear_and_wild_pork,
    check_heat_stated,
    check_oven_after,
    check_oven_hours,
    heat,
    heat_first,
    no_rule,
    poultry,
)
from tarebook.safety.soak import (
    check_soak,
    check_soak_warm,
    check_used_before,
    cold_hold,
    cold_soak,
    raw_splash,
    used_marinade,
)
from tarebook.safety.steps import check_steps
from tarebook.safety.storage import storage, vacuum

Check = Callable[[Case], tuple[Finding, ...]]

RULES: tuple[Check, ...] = (
    check_cure_dose,
    check_cure_scale,
    check_cure_words,
    check_cure_nitrate,
    check_cure_food,
    check_cure_little,
    check_heat_stated,
    check_oven_after,
    check_oven_hours,
    check_ground_soak,
    check_ground_lean,
    check_dryer,
    check_thickness,
    check_soak,
    check_soak_warm,
    check_used_before,
    check_steps,
    check_finish,
    check_salt_crystal,
)
"""What a recipe says that is at odds with a rule."""

TO_KNOW: tuple[Check, ...] = (
    heat,
    heat_first,
    bear_and_wild_pork,
    no_rule,
    mushroom_poison,
    ground,
    own_dryer,
    dryer,
    weighed_moist,
    cure_handling,
    own_scale,
    cure_is_no_heat,
    pork_freezing,
    fish_freezing,
    deer_testing,
    gloves,
    game_parasites,
    gut_shot,
    poultry,
    cold_soak,
    cold_hold,
    used_marinade,
    raw_splash,
    storage,
    vacuum,
    higher_risk,
    much_sodium,
    potassium,
    allergens,
    alcohol,
    enhanced_meat,
    salt_by_spoon,
    scaling,
    estimate,
    home_card,
)
"""What a cook must know with such a recipe, however well it is written."""


def check(recipe: Recipe) -> tuple[Finding, ...]:
    """Return what a recipe says that is at odds with a published rule, in file order.

    Args:
        recipe: as read.

    Returns:
        Findings with their places; each cites its rule. What every cook must know is not among
        them: see :func:`cautions`.
    """
    case = Case.of(recipe)
    found = [finding for rule in RULES for finding in rule(case)]
    placed = [one._replace(place=recipe.place(one.place.path)) for one in found]
    return tuple(sorted(placed, key=_line))


def cautions(case: Case) -> tuple[Caution, ...]:
    """Return every caution that applies to a batch, the most grave first.

    Args:
        case: the batch.

    Returns:
        What is at odds with a rule and what must be known; each with who says so.
    """
    found = [finding for rule in (*RULES, *TO_KNOW) for finding in rule(case)]
    return tuple(caution_of(finding) for finding in sorted(found, key=gravity))


def _line(found: Finding) -> int:
    return found.place.line or 0
