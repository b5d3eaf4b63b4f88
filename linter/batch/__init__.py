"""Many specs reviewed in one go, by any executor of ``concurrent.futures`` the caller has."""
