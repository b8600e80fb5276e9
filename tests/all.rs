mod faces;
