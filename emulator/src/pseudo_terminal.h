#pragma once
#include <csignal>
#include <string>

// The port that the host opens.
class PseudoTerminal {
public:
    // An empty link keeps none. Throws std::system_error if the system refuses.
    explicit PseudoTerminal(std::string link);
    ~PseudoTerminal();
    PseudoTerminal(const PseudoTerminal &) = delete;
    PseudoTerminal &operator=(const PseudoTerminal &) = delete;

    void open();
    // The host sees a hang-up, and the link is gone.
    void close();
    bool is_open() const { return master_ >= 0; }
    const std::string &path() const { return path_; }

    // Waits up to wait_ms for bytes, and tells whether a host has the port open.
    bool host_present(int wait_ms);
    // Without waiting.
    std::string read();
    // Waits for the reader; gives up if there is no host, or none any more, or `stop` has become true.
    void write(const std::string &bytes, const volatile sig_atomic_t &stop);
    // Up to patience_ms, for a host that is slower than virtual time.
    void wait_until_read(int patience_ms);
    // What the last host has left unread is not for the next one.
    void discard_unread();

private:
    std::string link_;
    std::string path_;
    int master_ = -1;
};
