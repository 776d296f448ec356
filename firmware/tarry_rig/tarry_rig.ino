#include "rig.h"

void setup() { rig_setup(); }
void loop() { rig_loop(); }
