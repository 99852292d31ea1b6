"""The Side by side page: variants beside the plan, sweeps, what is worth it, the schedule."""
