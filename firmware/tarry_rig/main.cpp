#ifndef ARDUINO

#include "rig.h"

int main() {
    rig_setup();
    for (;;)
        rig_loop();
}

#endif
