#include "command.h"
#include "frame_reader.h"

namespace {

bool read_fields(FrameReader &reader, Command &command) {
    uint32_t count = 0;
    bool good = true;
    switch (command.kind) {
    case 'c':
        good = reader.letters(4, command.key) && reader.hex(8, command.value);
        break;
    case 'p':
    case 'v':
        good = reader.hex(4, command.value);
        break;
    case 'r':
        good = reader.hex(8, command.value) && reader.hex(2, count);
        command.count = static_cast<uint8_t>(count);
        break;
    default:
        break;
    }
    return good && reader.at_end();
}

bool known(char kind) {
    return kind == 'h' || kind == 'c' || kind == 'g' || kind == 'x' || kind == 'p' || kind == 'r'
        || kind == 's' || kind == 'v';
}

}

Reading read_command(const char *line, uint8_t length, Command &command) {
    FrameReader reader(line, length);
    if (!reader.sound())
        return Reading::damaged;
    command = Command();
    command.kind = reader.kind();
    if (command.kind == 'k')
        return reader.hex(8, command.value) && reader.at_end() ? Reading::command : Reading::damaged;

    uint32_t n;
    if (!reader.hex(2, n))
        return Reading::damaged;
    command.n = static_cast<uint8_t>(n);
    if (!known(command.kind))
        return Reading::unknown_kind;
    return read_fields(reader, command) ? Reading::command : Reading::wrong_form;
}
