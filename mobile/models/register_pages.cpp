#include "mobile/models/register_pages.h"

using kneerail::Uuid;

RegisterPages::RegisterPages(StoreLink& store, kneerail::Clock& clock, kneerail::Random& random,
                             const std::function<Uuid()>& who, QObject* parent)
    : QObject(parent),
      site_(store, clock, random, who),
      run_(store, clock, random, who),
      change_(store, clock, random, who) {
  connect(&site_, &SiteSentence::layOutWanted, &run_, &RunSentence::begin);
  connect(&site_, &SiteSentence::changeWanted, &change_, &ChangedRun::begin);
  connect(&site_, &SiteSentence::runWanted, this, &RegisterPages::runWanted);
  connect(&site_, &SiteSentence::kept, this, &RegisterPages::kept);
  connect(&run_, &RunSentence::kept, this, [this](const Uuid& site) {
    site_.show_site(site);  // with the run that came in
    emit kept();
  });
  connect(&change_, &ChangedRun::kept, this, &RegisterPages::kept);
  connect(&change_, &ChangedRun::kept, this, &RegisterPages::runChanged);
}
