#pragma once

// What the window is made of: the link to the register and one model for each room. The screens are
// shown by an engine and go before this.

#include <future>
#include <memory>

#include "core/base/world.h"
#include "mobile/feel/feel.h"
#include "mobile/models/findings_model.h"
#include "mobile/models/forecast_model.h"
#include "mobile/models/forecast_worker.h"
#include "mobile/models/hazard_line.h"
#include "mobile/models/look_kept.h"
#include "mobile/models/prepare_model.h"
#include "mobile/models/register_pages.h"
#include "mobile/models/sites_model.h"
#include "mobile/models/store_link.h"
#include "mobile/models/this_tablet.h"
#include "mobile/models/visit_close.h"
#include "mobile/models/walk_model.h"
#include "mobile/models/walk_place.h"
#include "mobile/screens/first_room.h"
#include "mobile/screens/typing_gauge.h"

class QQmlApplicationEngine;
class QQmlComponent;

namespace kneerail {

class Rooms {
 public:
  /// A clock or random source that is not given is the machine's. Errors: those of StoreLink::open.
  static Result<std::unique_ptr<Rooms>> open(const Register::Options& options,
                                             StoreLink::Checks checks = StoreLink::Checks::before,
                                             std::future<StoreLink::Ahead> ahead = {});
  ~Rooms();

  /// Begins to load on the engine's own thread what show() will need.
  static void load_ahead(QQmlApplicationEngine& engine);

  /// Makes the window and behind its first frame the room, and begins to reckon when that is drawn.
  /// It stands where the walker was; where nobody walked yet, at the sites. No window is made
  /// before `graphics` is there.
  void show(QQmlApplicationEngine& engine, std::future<void> graphics = {});

  /// The window goes with everything it made, before its engine does. What a list of it held is
  /// given to the application otherwise, and goes after the fonts it is written in.
  static void take_down(QQmlApplicationEngine& engine);

  /// The checks behind found the register other than it is shown. False: nobody can write it, and
  /// something that was typed meanwhile stands on the screen alone; it stays there, with the
  /// reason.
  [[nodiscard]] bool may_be_made_again() const {
    return store_->writable() || !walk_->holds_typed();
  }
  /// Whether something that was asked of the register or of the forecast is still on its way.
  [[nodiscard]] bool reckons() const {
    return to_begin_ || worker_->busy() || sites_->busy() || findings_->busy() || close_->busy() ||
           prepare_->busy() || pages_->busy();
  }
  [[nodiscard]] StoreLink& store() { return *store_; }
  [[nodiscard]] WalkModel& walk() { return *walk_; }
  [[nodiscard]] VisitClose& close() { return *close_; }
  [[nodiscard]] WalkPlace& place() { return *place_; }
  [[nodiscard]] SitesModel& sites() { return *sites_; }
  [[nodiscard]] RegisterPages& pages() { return *pages_; }
  [[nodiscard]] FindingsModel& findings() { return *findings_; }
  [[nodiscard]] HazardLine& hazards() { return *hazards_; }
  [[nodiscard]] ForecastModel& forecast() { return *forecast_; }
  [[nodiscard]] ThisTablet& tablet() { return *tablet_; }
  [[nodiscard]] PrepareModel& prepare() { return *prepare_; }
  /// Of the window that is shown; null: none is.
  [[nodiscard]] FirstRoom* first_room() { return first_room_.get(); }

 private:
  Rooms(const Register::Options& options, std::unique_ptr<StoreLink> store);
  void lead_from_room_to_room();
  QObject* made_ahead(QQmlComponent& room, const Tokens& tokens);
  void begin();
  void let_hear(Tokens& tokens);

  bool to_begin_ = false;
  std::unique_ptr<Clock> own_clock_;
  std::unique_ptr<Random> own_random_;
  std::unique_ptr<StoreLink> store_;
  std::unique_ptr<ThisTablet> tablet_;
  std::unique_ptr<WalkModel> walk_;
  std::unique_ptr<WalkPlace> place_;
  std::unique_ptr<VisitClose> close_;
  std::unique_ptr<FirstRoom> first_room_;
  std::unique_ptr<LookKept> look_;
  std::unique_ptr<feel::Feel> feel_;
  TypingGauge gauge_;
  std::unique_ptr<ForecastWorker> worker_;
  std::unique_ptr<SitesModel> sites_;
  std::unique_ptr<RegisterPages> pages_;
  std::unique_ptr<FindingsModel> findings_;
  std::unique_ptr<HazardLine> hazards_;
  std::unique_ptr<ForecastModel> forecast_;
  std::unique_ptr<PrepareModel> prepare_;
};

}  // namespace kneerail
