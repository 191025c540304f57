package wattle.rules;

import wattle.model.Electrode;
import wattle.model.Service;

/** An electrode with the service that it earths. */
record ElectrodeOf(Service service, Electrode electrode) {}
