"""The leisure electrics: energy of a day, battery, inverter, charging, sun and the campsite plug."""
