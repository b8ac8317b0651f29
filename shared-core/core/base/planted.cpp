#include "core/base/planted.hpp"

namespace bullace {

#ifdef BULLACE_PLANTED
thread_local Bug plantedBug = Bug::None;
#endif

} // namespace bullace
