// The benchmarks of the sciences by kind. Each prints its figures as JSON lines, with the target
// beside each.
#pragma once

namespace bullace::bench {

void benchWeather();
void benchSeason();
void benchKill();
void benchMixed();
void benchPedigree();
void benchCrossPlan();

} // namespace bullace::bench
