#pragma once

// What the walk reads of the register before anything of it can be shown. No Qt and no models, so
// that a thread can read it while the window comes up.

#include "core/base/world.h"
#include "schema/store/register.h"
#include "schema/store/run_store.h"
#include "schema/store/visit_store.h"

namespace kneerail {

/// Who walks: who was chosen, else the first; null where there is nobody.
const KnownPerson* who_walks(const std::vector<KnownPerson>& people, const Uuid& chosen);

/// The visit of that person that goes on at a site on this device. Errors: io.
Result<std::optional<Uuid>> visit_under_way(Register& store, const Uuid& site, const Uuid& person,
                                            Instant now);

/// The run that was walked last, in the visit that goes on there; its `visit` is zero where none
/// does. Nothing where nobody walked or something cannot be read: who opens the walk finds out.
std::optional<RunSheet> run_walked_last(Register& store, Instant now);

}  // namespace kneerail
