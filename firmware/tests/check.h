#pragma once
#include <string>

// Counts; a check that fails is told on stderr.
void check(bool holds, const std::string &what);
// Tells how many; the exit code of the program.
int report_checks();
