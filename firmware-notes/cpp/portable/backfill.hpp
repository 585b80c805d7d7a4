// What could not be said yet, oldest first. Fixed memory: when it is full the oldest goes, and is counted.
#pragma once
#include <cstddef>
#include <string>
#include <vector>

namespace kiln {

class Backfill {
 public:
  explicit Backfill(size_t capacity) : slots_(capacity) {}

  void keep(const std::string& pack) {
    if (count_ == slots_.size()) {
      first_ = (first_ + 1) % slots_.size();
      count_--;
      lost_++;
    }
    slots_[(first_ + count_) % slots_.size()] = pack;
    count_++;
  }

  bool empty() const { return count_ == 0; }
  size_t size() const { return count_; }
  size_t lost() const { return lost_; }
  const std::string& oldest() const { return slots_[first_]; }

  // Only after the broker has acknowledged it: what is sent but not acknowledged is sent again, with the same identity.
  void acknowledged() {
    slots_[first_].clear();
    first_ = (first_ + 1) % slots_.size();
    count_--;
  }

 private:
  std::vector<std::string> slots_;
  size_t first_ = 0;
  size_t count_ = 0;
  size_t lost_ = 0;
};

}  // namespace kiln
