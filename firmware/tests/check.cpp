#include "check.h"
#include <cstdio>

static int failures;
static int checks;

void check(bool holds, const std::string &what) {
    checks++;
    if (!holds) {
        failures++;
        std::fprintf(stderr, "FAILED: %s\n", what.c_str());
    }
}

int report_checks() {
    std::printf("%d checks, %d failed\n", checks, failures);
    return failures == 0 ? 0 : 1;
}
