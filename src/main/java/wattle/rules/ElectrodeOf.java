package wattle.rules;

import java.util.Optional;
import wattle.model.Electrode;
import wattle.model.Panel;
import wattle.model.Service;

/**
 * An electrode with the service that it grounds.
 *
 * @param panel of the other building at which it stands; absent for one at the service itself
 */
record ElectrodeOf(Service service, Optional<Panel> panel, Electrode electrode) {}
