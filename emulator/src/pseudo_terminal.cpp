#include "pseudo_terminal.h"
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <poll.h>
#include <sys/ioctl.h>
#include <system_error>
#include <termios.h>
#include <unistd.h>

namespace {

[[noreturn]] void refuse(const std::string &what) { throw std::system_error(errno, std::generic_category(), what); }

}

PseudoTerminal::PseudoTerminal(std::string link) : link_(std::move(link)) { open(); }

PseudoTerminal::~PseudoTerminal() { close(); }

void PseudoTerminal::open() {
    master_ = posix_openpt(O_RDWR | O_NOCTTY | O_NONBLOCK | O_CLOEXEC);
    if (master_ < 0 || grantpt(master_) != 0 || unlockpt(master_) != 0)
        refuse("pseudo-terminal");
    path_ = ptsname(master_);

    // Once opened and closed, the other side shows a hang-up as long as no host is there; and it is raw from the start.
    const int slave = ::open(path_.c_str(), O_RDWR | O_NOCTTY | O_CLOEXEC);
    termios settings;
    if (slave < 0 || tcgetattr(slave, &settings) != 0)
        refuse(path_);
    cfmakeraw(&settings);
    tcsetattr(slave, TCSANOW, &settings);
    ::close(slave);

    if (link_.empty())
        return;
    const std::string fresh = link_ + ".new";
    ::unlink(fresh.c_str());
    if (::symlink(path_.c_str(), fresh.c_str()) != 0 || std::rename(fresh.c_str(), link_.c_str()) != 0)
        refuse(link_);
}

void PseudoTerminal::close() {
    if (!is_open())
        return;
    if (!link_.empty())
        ::unlink(link_.c_str());
    ::close(master_);
    master_ = -1;
}

bool PseudoTerminal::host_present(int wait_ms) {
    if (!is_open())
        return false;
    pollfd state = {master_, POLLIN, 0};
    ::poll(&state, 1, wait_ms);
    return !(state.revents & POLLHUP);
}

std::string PseudoTerminal::read() {
    char bytes[512];
    const ssize_t count = is_open() ? ::read(master_, bytes, sizeof bytes) : 0;
    return count > 0 ? std::string(bytes, static_cast<std::size_t>(count)) : std::string();
}

void PseudoTerminal::write(const std::string &bytes, const volatile sig_atomic_t &stop) {
    std::size_t written = 0;
    while (written < bytes.size() && !stop) {
        pollfd state = {master_, POLLOUT, 0};
        ::poll(&state, 1, 50);
        if (!is_open() || (state.revents & POLLHUP))
            return;
        const ssize_t count = ::write(master_, bytes.data() + written, bytes.size() - written);
        if (count > 0)
            written += static_cast<std::size_t>(count);
        else if (count < 0 && errno != EAGAIN && errno != EINTR)
            return;
    }
}

void PseudoTerminal::wait_until_read(int patience_ms) {
    const int slave = ::open(path_.c_str(), O_RDWR | O_NOCTTY | O_CLOEXEC);
    if (slave < 0)
        return;
    int unread = 0;
    while (patience_ms-- > 0 && ::ioctl(slave, FIONREAD, &unread) == 0 && unread > 0)
        ::usleep(1000);
    ::close(slave);
}

void PseudoTerminal::discard_unread() {
    const int slave = ::open(path_.c_str(), O_RDWR | O_NOCTTY | O_CLOEXEC);
    if (slave < 0)
        return;
    tcflush(slave, TCIOFLUSH);
    ::close(slave);
}
