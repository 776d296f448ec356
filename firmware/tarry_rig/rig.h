#pragma once

void rig_setup();
void rig_loop();
