"""The physics: plain functions on SI numbers, one module per topic."""
