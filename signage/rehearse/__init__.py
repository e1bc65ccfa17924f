"""Level 2: a protocol is walked step by step against declared facts.

Where to begin reading: ``walkthrough`` is one walk in its order; ``verbs`` holds what each movement does,
``verbs/undressing`` most of it; ``techniques``, ``level`` and ``layers`` are the physical facts; ``rules``
says what each finding means. The entrances are ``rehearsal.rehearse`` (one walk), ``study.study_protocol``
(with steps left out and exchanged), ``stress_review.review_stress`` (every single slip),
``purpose.purpose_of`` (what a step protects), ``alternatives.judge_order`` (a learner's order),
``equipment.derive_equipment``, ``repairs.suggest_repairs`` and ``waivers.apply_waivers``. ``explanation``
says what led to a finding; ``walked`` lets other orders share what they share with the protocol's own.
"""
