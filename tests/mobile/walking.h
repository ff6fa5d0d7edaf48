#pragma once

// A small site to walk, on a disk whose power can be cut: posts with a top tee (three screws) and a
// mid-rail cross (two), bays between them, and a visit a year ago that graded every part 1 and
// measured every tee. The machine can be switched off and on; touches are the model's own.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "mobile/models/walk_model.h"
#include "tests/faults/fault_disk.h"
#include "tests/schema/register_fixture.h"

namespace kneerail::tests {

/// The ids of the walked site.
struct WalkedSite {
  explicit WalkedSite(int posts);

  Uuid organisation = id_of(1, 1);
  Uuid site = id_of(2, 1);
  Uuid zone = id_of(3, 1);
  Uuid run = id_of(4, 1);
  Uuid rules = id_of(11, 1);
  Uuid gauge = id_of(9, 1);
  Uuid wrench = id_of(9, 2);
  Uuid person = id_of(10, 1);
  Uuid tee_type = id_of(8, 1);
  Uuid cross_type = id_of(8, 2);
  Uuid last_visit = id_of(20, 1);
  std::vector<Uuid> posts;
  std::vector<Uuid> tees;
  std::vector<Uuid> crosses;
  std::vector<Uuid> bays;

  /// Register, people, instruments and last year's visit, in the order they are saved.
  [[nodiscard]] std::vector<Entry> things() const;
  [[nodiscard]] std::vector<Entry> last_year() const;
};

/// Last year's replicates on every tee, 0.1 µm.
inline constexpr std::int64_t last_year_tenth_um[] = {880, 840, 860, 900, 850};

/// The walked site in a folder of the machine, where programs and threads can open it.
class SiteFolder {
 public:
  /// `last_year`: with the visit of a year ago.
  explicit SiteFolder(bool last_year);

  [[nodiscard]] Register::Options options(Mode mode = Mode::write) {
    return world_.options(path(), mode);
  }
  [[nodiscard]] std::filesystem::path path() const { return folder_.path() / "register"; }
  [[nodiscard]] const WalkedSite& site() const { return site_; }

 private:
  Folder folder_;
  World world_;
  WalkedSite site_{4};
};

class Walking {
 public:
  explicit Walking(int posts = 4, std::uint64_t seed = 1);
  ~Walking();

  /// Opens register and model, and the run.
  void switch_on();
  /// Model and register go, whatever they were at.
  void switch_off();
  /// The power goes, with whatever the disk had not synced, and comes back.
  void cut_power(std::uint64_t seed);
  /// Entries of another hand, while it is off.
  void write_down(const std::vector<Entry>& entries);
  /// Everything that was asked is on the disk, and every answer has come.
  void settle();

  [[nodiscard]] WalkModel& walk() { return *walk_; }
  [[nodiscard]] CoatingSet& coating() { return *walk_->coating(); }
  [[nodiscard]] TorqueCheck& torque() { return *walk_->torque(); }
  [[nodiscard]] StoreLink& store() { return *store_; }
  [[nodiscard]] faults::FaultDisk& disk() { return disk_; }
  [[nodiscard]] SteadyClock& clock() { return world_.clock; }
  [[nodiscard]] const WalkedSite& site() const { return site_; }

  /// The pad's keys: digits, then the next slot.
  void type(const QString& digits);
  [[nodiscard]] QString slot(int slot, CoatingSet::Role role = CoatingSet::TextRole);
  [[nodiscard]] bool slot_is(int slot, CoatingSet::Role role);
  /// The places of the tee and the cross of a post.
  [[nodiscard]] int tee(int post) const { return place_of(site_.tees, post); }
  [[nodiscard]] int cross(int post) const { return place_of(site_.crosses, post); }

  std::int64_t count(const std::string& sql);
  /// The run as the register has it now, read whole.
  RunSheet read_whole();
  /// Replicates on record of a tee's spot, of visits after last year's, in order of entry.
  std::vector<std::int64_t> recorded(int post);
  /// What counts in the register, as text: grades, coatings, torques, pushed bays, skipped posts.
  std::string standing();

 private:
  [[nodiscard]] int place_of(const std::vector<Uuid>& parts, int post) const;

  faults::FaultDisk disk_;
  World world_;
  SplitMix64 chance_;  ///< the screens' own
  WalkedSite site_;
  std::unique_ptr<StoreLink> store_;
  std::unique_ptr<WalkModel> walk_;
};

}  // namespace kneerail::tests
