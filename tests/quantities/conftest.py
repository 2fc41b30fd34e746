"""Properties are tried without a clock: a busy machine must not make a correct one fail."""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("quantities", deadline=None)
settings.load_profile("quantities")
