# Keys are the same, in the same order, in every language. Sections follow the folders that use them.

## notation

## geometry

## drawing

round = Vuelta

## page

## file
