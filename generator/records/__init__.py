"""YAML files as checked records, with a place for every problem; knows no kind."""

from generator.records.checking import check
from generator.records.expectation import Inner, expected, several
from generator.records.finding import Finding, located_finding, without_accepted
from generator.records.folder import RecordFile, RecordFolder, read_folder
from generator.records.located import Located, read
from generator.records.record import Record

__all__ = [
    "Finding",
    "Inner",
    "Located",
    "Record",
    "RecordFile",
    "RecordFolder",
    "check",
    "expected",
    "located_finding",
    "read",
    "read_folder",
    "several",
    "without_accepted",
]
