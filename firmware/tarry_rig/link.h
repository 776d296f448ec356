#pragma once

// The conversation with the host: its commands in, reports out.
void link_setup();
void link_step();
