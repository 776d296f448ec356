#include "report_descriptor.h"
#include <algorithm>

namespace {

enum : unsigned { main_item = 0, global_item = 1, local_item = 2 };

struct Item {
    unsigned type, tag;
    uint32_t data;
    int32_t number;   // the data as a signed number
};

bool next_item(const std::vector<uint8_t> &bytes, size_t &at, Item &item) {
    const uint8_t prefix = bytes[at++];
    const size_t size = (prefix & 3) == 3 ? 4 : prefix & 3;
    if (prefix == 0xfe || bytes.size() - at < size)
        return false;
    item = {(prefix >> 2) & 3u, static_cast<unsigned>(prefix >> 4), 0, 0};
    for (size_t i = 0; i < size; i++)
        item.data |= static_cast<uint32_t>(bytes[at + i]) << (8 * i);
    at += size;
    const unsigned unused = 32 - 8 * static_cast<unsigned>(size);
    item.number = size == 0 ? 0 : static_cast<int32_t>(item.data << unused) >> unused;
    return true;
}

struct Globals {
    uint32_t page = 0;
    int32_t lowest = 0, highest = 0;
    unsigned size = 0, count = 0;
};

void add_input(ReportLayout &layout, const Globals &globals, uint32_t application, const std::vector<uint32_t> &usages,
               uint32_t flags) {
    for (unsigned i = 0; i < globals.count; i++) {
        const bool constant = flags & 1;
        // The last usage stands for the fields that have none of their own (HID 1.11 section 6.2.2.8).
        const uint32_t usage = constant || usages.empty() ? 0 : usages[std::min<size_t>(i, usages.size() - 1)];
        layout.fields.push_back({application, usage, layout.input_bits, globals.size, globals.lowest, globals.highest,
                                 constant, (flags & 2) != 0, (flags & 4) != 0});
        layout.input_bits += globals.size;
    }
}

}

ReportLayout read_report_descriptor(const std::vector<uint8_t> &bytes) {
    ReportLayout layout;
    Globals globals;
    std::vector<uint32_t> usages;
    uint32_t from = 0, application = 0;
    int open = 0;
    for (size_t at = 0; at < bytes.size();) {
        Item item;
        if (!next_item(bytes, at, item)) {
            layout.sound = false;
            return layout;
        }
        const uint32_t usage = globals.page << 16 | item.data;
        if (item.type == global_item) {
            switch (item.tag) {
            case 0: globals.page = item.data; break;
            case 1: globals.lowest = item.number; break;
            case 2: globals.highest = item.number; break;
            case 7: globals.size = item.data; break;
            case 9: globals.count = item.data; break;
            }
        } else if (item.type == local_item) {
            if (item.tag == 0)
                usages.push_back(usage);
            else if (item.tag == 1)
                from = usage;
            else if (item.tag == 2)
                for (uint32_t each = from; each <= usage; each++)
                    usages.push_back(each);
        } else {
            if (item.tag == 0x8)
                add_input(layout, globals, application, usages, item.data);
            if (item.tag == 0xa && open++ == 0 && item.data == 1)
                application = usages.empty() ? 0 : usages[0];
            if (item.tag == 0xc)
                open--;
            usages.clear();
        }
    }
    layout.sound = layout.sound && open == 0;
    return layout;
}
